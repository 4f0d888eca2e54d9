/** What some browsers offer beyond the library's types: files that can be written again. */
interface FilePickerType {
  description: string;
  accept: Record<string, string[]>;
}

interface FileSystemHandlePermission {
  mode: 'read' | 'readwrite';
}

interface FileSystemFileHandle {
  queryPermission?(descriptor: FileSystemHandlePermission): Promise<PermissionState>;
  requestPermission?(descriptor: FileSystemHandlePermission): Promise<PermissionState>;
}

interface DataTransferItem {
  getAsFileSystemHandle?(): Promise<FileSystemHandle | null>;
}

interface Window {
  showSaveFilePicker?(options: {
    suggestedName: string;
    types: FilePickerType[];
  }): Promise<FileSystemFileHandle>;
  showOpenFilePicker?(options: {
    multiple: boolean;
    types: FilePickerType[];
  }): Promise<FileSystemFileHandle[]>;
}
