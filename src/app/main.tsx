import { createRoot } from 'react-dom/client';
import './theme.css';

// In parts, each started in a task of its own: started together they would hold the page up.
await import('../nodes/registry.ts');
await import('../view/PrintView.tsx');
await import('../wiring/Wiring.tsx');
const { App } = await import('./App.tsx');

createRoot(document.getElementById('root')!).render(<App />);
